import "./fileRoundTrip.test";
