/**
 * The catalogue of the sentences people read (sentences.properties), and what fills its places. A
 * sentence stands there whole, never in pieces, with a form for one and a form for many.
 *
 * <p>Start at {@link gapwise.sentence.Sentences}. Every room may ask it; it knows none. What stops
 * a person (problems of cells, plans and commands) is not here: it stands in the rule that finds
 * it, beside its code.
 */
package gapwise.sentence;
