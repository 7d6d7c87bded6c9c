package gapwise.supplement;

import static gapwise.sentence.Sentences.say;

import gapwise.datapackage.PackageWriter;
import gapwise.figure.Reference;
import gapwise.figure.file.References;
import gapwise.report.Citation;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.OptionalInt;

/** Papers cited, as text and in the forms that reference programs read. */
final class Citations {
  private Citations() {}

  /**
   * Writes a list in every form; none where it is empty.
   *
   * @param stem of the files, such as studies
   * @param what the list is, in a sentence
   */
  static void write(PackageWriter writer, String stem, String what, List<Reference> list)
      throws IOException {
    if (list.isEmpty()) {
      return;
    }
    References references = new References(list);
    String file = "citations/" + stem;
    add(writer, file + ".txt", SupplementForm.TEXT_TYPE, what, references.lines());
    add(writer, file + ".ris", "application/x-research-info-systems", what, references.ris());
    add(
        writer,
        file + ".json",
        "application/vnd.citationstyles.csl+json",
        what,
        references.cslJson().replace("\r\n", "\n"));
    add(writer, file + ".bib", "application/x-bibtex", what, references.bibtex());
  }

  private static void add(PackageWriter writer, String path, String type, String what, String text)
      throws IOException {
    writer.addText(SupplementForm.file(path, type, what), text);
  }

  /** The papers behind lines of a list of references of methods. */
  static List<Reference> ofMethods(Collection<String> lines) {
    List<Reference> references = new ArrayList<>();
    for (String line : lines) {
      references.add(Citation.ofLine(line).map(Citations::of).orElse(Reference.ofLine(line)));
    }
    return references;
  }

  private static Reference of(Citation one) {
    return new Reference(
        one.key(),
        one.line(),
        one.title(),
        Arrays.stream(one.authors().split(", "))
            .filter(name -> !name.equals("editors"))
            .map(Citations::author)
            .toList(),
        OptionalInt.of(one.year()),
        one.source(),
        one.volume().orElse(""),
        "",
        one.pages().orElse(""),
        one.doi().orElse(""),
        "",
        false);
  }

  /** The last word of a name in a list of references is its initials. */
  private static Reference.Author author(String name) {
    int initials = name.lastIndexOf(' ');
    return initials < 0
        ? new Reference.Author(name, "", "", true)
        : new Reference.Author(name.substring(0, initials), name.substring(initials + 1), "");
  }

  /** What the list of the studies is. */
  static String ofStudies() {
    return say("supplement.citations-of-studies");
  }
}
