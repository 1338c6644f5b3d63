// @vitest-environment happy-dom
import "./balance.test";
