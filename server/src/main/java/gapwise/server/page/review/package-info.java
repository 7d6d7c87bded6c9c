/**
 * The review: its question, eligibility, outcomes and people, its versions, and how far it has
 * come. Start at {@link gapwise.server.page.review.ReviewPage}.
 */
package gapwise.server.page.review;
