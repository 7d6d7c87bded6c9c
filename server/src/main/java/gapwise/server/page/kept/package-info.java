/**
 * Kept questions: kept from a page, listed with what moved since, taken anew. Start at {@link
 * gapwise.server.page.kept.KeptQuestionsPage}.
 */
package gapwise.server.page.kept;
