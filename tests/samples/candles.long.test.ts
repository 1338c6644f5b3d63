import "./candles.test";
