/**
 * A claim that one method does better than another, and what may be said of it. Start at {@link
 * gapwise.server.page.claim.ClaimPage}.
 */
package gapwise.server.page.claim;
