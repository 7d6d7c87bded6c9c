/**
 * What one request may take before and while it is answered: connections, time, bytes, and how much
 * is computed at once. It ends the computing that nobody waits for any more.
 *
 * <p>Start at {@link gapwise.server.admission.Admission}. What is answered is not known here.
 */
package gapwise.server.admission;
