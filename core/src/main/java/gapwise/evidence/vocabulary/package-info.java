/**
 * The closed lists of words in which records are written: methods and their parts, outcomes,
 * details, designs, clocks, reasons for an empty cell. Lists that grow are data beside this package
 * and need one entry more; the others are enums. Start at {@link
 * gapwise.evidence.vocabulary.Coded}. Records themselves do not belong here.
 */
package gapwise.evidence.vocabulary;
