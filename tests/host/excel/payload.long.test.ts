import "./payload.test";
