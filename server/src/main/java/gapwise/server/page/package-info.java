/**
 * The pages: one class a page beside its template of the same name. A page reads the address, asks
 * the core, and hands one value to its template; it computes nothing that a plan cannot say.
 *
 * <p>Start at {@link gapwise.server.page.studies.StudiesPage}. Addresses keep every choice ({@link
 * gapwise.server.address.Address}); filters are read in one place ({@link
 * gapwise.server.address.Filters}).
 */
package gapwise.server.page;
