import "./sheets.test";
