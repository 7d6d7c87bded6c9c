package gapwise.server.page.part;

/**
 * One drawing as it stands in a page, for a desk and for a phone.
 *
 * @param wide as SVG
 * @param narrow as SVG
 */
public record TwoWidths(String wide, String narrow) {}
