import "./searchPots.test";
