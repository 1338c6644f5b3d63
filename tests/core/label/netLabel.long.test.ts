import "./netLabel.test";
