/**
 * Work that outlasts a request: imports of filled templates as they are handed in by a form, one at
 * a time, with their progress. Start at {@link gapwise.server.job.ImportJobs}.
 */
package gapwise.server.job;
