/**
 * The reviewer's desk: drafts listed, begun, typed, settled and handed in; versions of a study
 * beside each other. Start at {@link gapwise.server.page.desk.DraftPage}.
 */
package gapwise.server.page.desk;
