package gapwise.server.page.desk;

/**
 * The paper beside a draft.
 *
 * @param paper its name
 * @param pages how many pages it has
 */
public record PaperView(String paper, int pages) {}
