import "./sizes.test";
