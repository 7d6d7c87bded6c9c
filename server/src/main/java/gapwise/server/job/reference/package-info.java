/**
 * Files of references read and compared in the background, one load at a time; what was found stays
 * until the server stops or newer loads push it out. Start at {@link
 * gapwise.server.job.reference.ReferenceJobs}.
 */
package gapwise.server.job.reference;
