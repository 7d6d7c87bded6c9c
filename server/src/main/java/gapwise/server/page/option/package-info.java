/** Methods side by side for one situation, and what may be prepared from them. */
package gapwise.server.page.option;
