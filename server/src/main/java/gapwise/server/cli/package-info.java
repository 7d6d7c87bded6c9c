/**
 * The command line, one class a command. Exit codes: 0 done, 1 broke off through no fault of the
 * person, 2 what was given is wrong. Results go to standard output, words for people to standard
 * error.
 */
package gapwise.server.cli;
