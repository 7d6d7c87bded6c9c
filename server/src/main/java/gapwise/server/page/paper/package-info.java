/**
 * A paper on the screen: its pages as pictures with their words over them, and the place of a
 * number marked. Start at {@link gapwise.server.page.paper.PaperPages}.
 */
package gapwise.server.page.paper;
