/** The sheet as PDF and as a text document, from the same value and template as its page. */
package gapwise.server.report;
