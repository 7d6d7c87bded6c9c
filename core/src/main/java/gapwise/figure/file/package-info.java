/**
 * What a figure is taken away as: every kind of file ({@link gapwise.figure.file.FigureFile}), PNG,
 * lists of references, and what each file says of itself, so that a picture or a line of a table
 * still tells where it comes from. It knows no kind of figure.
 */
package gapwise.figure.file;
