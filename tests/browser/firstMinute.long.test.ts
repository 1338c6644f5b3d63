import "./firstMinute.test";
