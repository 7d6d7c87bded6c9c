package gapwise.figure;

import java.util.List;

/**
 * What a figure keeps about itself inside the file: Dublin Core terms (DCMI, elements 1.1) in
 * RDF/XML, the place that SVG's metadata element is meant for.
 */
final class FigureMetadata {
  private FigureMetadata() {}

  static void write(Svg svg, Forest forest) {
    List<String> citations = forest.rows().stream().map(Row::citation).toList();
    write(svg, forest.heading().title(), caption(forest), citations, forest.provenance());
  }

  static void write(
      Svg svg, String title, String caption, List<String> citations, Provenance provenance) {
    svg.open("metadata");
    svg.open(
        "rdf:RDF",
        "xmlns:rdf",
        "http://www.w3.org/1999/02/22-rdf-syntax-ns#",
        "xmlns:dc",
        "http://purl.org/dc/elements/1.1/");
    svg.open("rdf:Description", "rdf:about", "");
    svg.element("dc:title", title);
    svg.element("dc:description", caption);
    svg.element("dc:type", "StillImage");
    svg.element("dc:format", "image/svg+xml");
    if (!provenance.dataVersion().isBlank()) {
      svg.element("dc:source", "Data version: " + provenance.dataVersion());
    }
    citations.stream()
        .filter(citation -> !citation.isBlank())
        .distinct()
        .forEach(citation -> svg.element("dc:source", citation));
    provenance.dataDate().ifPresent(date -> svg.element("dc:date", date.toString()));
    svg.close("rdf:Description").close("rdf:RDF").close("metadata");
  }

  /** The full caption: result in sentences, cautions, size, model, data version, date. */
  static String caption(Forest forest) {
    return caption(forest.description(), forest.provenance());
  }

  /** The caption of any figure. */
  static String caption(String description, Provenance provenance) {
    return description + " " + String.join(". ", provenance.phrases()) + ".";
  }
}
