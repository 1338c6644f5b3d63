import "./workedOutAnew.test";
