/**
 * The process that reads one paper after another for its server: files opened, pages gone through
 * and drawn, letters put together into words. The only room that knows PDFBox, and no other room
 * uses it: {@code gapwise.paper} starts it as a program and asks it over its input.
 *
 * <p>Start at {@code ReaderMain}. What a page means once its words are known does not belong here.
 */
package gapwise.paper.file;
