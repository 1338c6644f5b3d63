import fc from "fast-check";

// The same change is to be noticed each time, or each time not.
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: 1 });
