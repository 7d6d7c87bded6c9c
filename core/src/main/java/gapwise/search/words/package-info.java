/**
 * What people type, read as filters: methods, outcomes, missing length, bones, infection, designs
 * and years in plain words.
 *
 * <p>Start at {@link gapwise.search.words.PlainWords}. Looking anything up does not belong here.
 */
package gapwise.search.words;
