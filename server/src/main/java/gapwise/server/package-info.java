/** The doors of Gapwise: pages, HTTP API and command line, all over the same core functions. */
package gapwise.server;
