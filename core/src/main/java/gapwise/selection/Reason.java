package gapwise.selection;

/**
 * Why something does not enter.
 *
 * @param code kebab-case word that stays stable
 * @param message a sentence for people
 */
record Reason(String code, String message) {}
