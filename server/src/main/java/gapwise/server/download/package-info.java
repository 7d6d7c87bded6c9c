/**
 * What is sent as a file, by pages and API alike: a figure in each of its kinds, and any other
 * attachment. What is drawn and what an address wishes of it are decided elsewhere. Start at {@link
 * gapwise.server.download.FigureDownloads}.
 */
package gapwise.server.download;
