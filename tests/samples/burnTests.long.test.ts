import "./burnTests.test";
