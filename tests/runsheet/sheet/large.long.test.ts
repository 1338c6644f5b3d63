import "./large.test";
