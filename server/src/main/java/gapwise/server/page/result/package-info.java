/**
 * What came of a question: pooled, over the length of missing bone, and with small series against
 * large ones. Start at {@link gapwise.server.page.result.PooledPage}.
 */
package gapwise.server.page.result;
