/** The flow of records through a review as a figure. */
package gapwise.screening.drawn;
