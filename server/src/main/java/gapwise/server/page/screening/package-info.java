/** Which kept references a review takes: read one by one, settled where two differ, counted. */
package gapwise.server.page.screening;
