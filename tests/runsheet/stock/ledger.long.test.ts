import "./ledger.test";
