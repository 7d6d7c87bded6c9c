/**
 * The course of one case beside pooled times, one track for each moment from which times are
 * counted. Start at {@link gapwise.figure.timeline.Timeline}.
 */
package gapwise.figure.timeline;
