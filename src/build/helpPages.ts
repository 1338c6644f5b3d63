import type { Compiler, default as webpackModule } from "webpack";
export function helpPages(_webpack: typeof webpackModule) {
  return (_compiler: Compiler) => {};
}
