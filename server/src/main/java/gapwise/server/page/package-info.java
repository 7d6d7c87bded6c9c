/**
 * The frame of every page, and the pages by subject in the rooms below: {@code studies} (listed,
 * shown, added), {@code result} (pooled, by size, small against large), {@code map} (what there is,
 * and what is missing), {@code claim}, {@code place}; {@code part} holds what several pages show.
 * One class a page, beside its template of the same name. A page reads the address, asks the core,
 * and hands one value to its template, of one kind for each case that the template tells apart; it
 * computes nothing that a plan cannot say.
 *
 * <p>Start at {@link gapwise.server.page.studies.StudiesPage}. What addresses say is read in {@link
 * gapwise.server.address}.
 */
package gapwise.server.page;
