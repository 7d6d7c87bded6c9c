/**
 * A colleague's own sheet: what is read in it, what a person must decide, and its way into the
 * import. Start at {@link gapwise.server.page.untidy.UntidyPage}.
 */
package gapwise.server.page.untidy;
