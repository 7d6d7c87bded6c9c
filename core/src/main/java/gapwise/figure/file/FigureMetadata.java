package gapwise.figure.file;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.Figure;
import gapwise.figure.FigureProvenance;
import gapwise.figure.Reference;
import gapwise.figure.drawing.Svg;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * What a figure keeps about itself inside the file: Dublin Core terms (DCMI, elements 1.1) in
 * RDF/XML, the place that SVG's metadata element is meant for.
 */
public final class FigureMetadata {
  /** A file cites so many studies itself; of a longer list the rest stands in the list alone. */
  static final int MOST_CITED = 300;

  private FigureMetadata() {}

  public static void write(Svg svg, Figure figure) {
    FigureProvenance provenance = figure.provenance();
    svg.open("metadata");
    svg.open(
        "rdf:RDF",
        "xmlns:rdf",
        "http://www.w3.org/1999/02/22-rdf-syntax-ns#",
        "xmlns:dc",
        "http://purl.org/dc/elements/1.1/");
    svg.open("rdf:Description", "rdf:about", "");
    svg.element("dc:title", figure.title());
    svg.element("dc:description", figure.caption());
    svg.element("dc:type", "StillImage");
    svg.element("dc:format", "image/svg+xml");
    provenance.version().ifPresent(version -> svg.element("dc:source", version));
    citations(figure).forEach(citation -> svg.element("dc:source", citation));
    provenance.dataDate().ifPresent(date -> svg.element("dc:date", date.toString()));
    svg.close("rdf:Description").close("rdf:RDF").close("metadata");
  }

  /** Lines of the studies shown, and how many more the list of references holds. */
  static List<String> citations(Figure figure) {
    List<String> all = figure.references().stream().map(Reference::line).distinct().toList();
    List<String> cited = new ArrayList<>(all.subList(0, Math.min(MOST_CITED, all.size())));
    if (all.size() > MOST_CITED) {
      cited.add(
          say("figure.more-references", Map.of("more", Integer.toString(all.size() - MOST_CITED))));
    }
    return List.copyOf(cited);
  }
}
