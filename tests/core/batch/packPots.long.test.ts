import "./packPots.test";
