import "./seenAgree.test";
