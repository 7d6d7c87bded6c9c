/**
 * Files of references read, one result a record, and written again; the log of searches.
 *
 * <p>Start at {@link gapwise.reference.format.ReferenceReader}. Each format has a class that parts
 * a file into records and one that makes a reference of a record. Files are read as a stream: what
 * is kept of one record has a limit, and one damaged record does not sink the others.
 */
package gapwise.reference.format;
