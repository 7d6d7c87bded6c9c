/**
 * The studies: groups of patients found and listed, one study shown with its history, new ones
 * added. Start at {@link gapwise.server.page.studies.StudiesPage}.
 */
package gapwise.server.page.studies;
