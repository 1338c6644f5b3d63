import "./work.test";
