import { expect, it } from "vitest";
import { inParentheses } from "../src/build/eagerModules";

/** As the minimizer leaves it: modules as methods and as arrow functions, and much that only looks like one. */
const SCRIPT = `(()=>{var m={7(e,t,n){t.a="},9(e){";t.b=n(9)},9:e=>{e.exports={1(){return 2},x:3}},12(e){}},c={};
function r(i){if(c[i])return c[i].exports;var o=c[i]={exports:{}};m[i](o,o.exports,r);return o.exports}return r(7)})()`;

it("puts the functions of modules into parentheses, and what they do stays the same", () => {
  const eager = inParentheses(SCRIPT);
  expect(eager).toContain('{7:(function(e,t,n){t.a="},9(e){";t.b=n(9)}),9:(e=>{');
  expect(eager).toContain("12:(function(e){})}");
  // Within a module all stays as it is.
  expect(eager).toContain("e.exports={1(){return 2},x:3}}");
  const [before, after] = [SCRIPT, eager].map((script) => JSON.stringify(new Function(`return ${script}`)()));
  expect(before).toBe('{"a":"},9(e){","b":{"x":3}}');
  expect(after).toBe(before);
});
