import "./packPlan.test";
