import "./saveBook.test";
