import "./edits.test";
