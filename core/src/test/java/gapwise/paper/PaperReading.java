package gapwise.paper;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.paper.curve.Rebuilt;
import gapwise.paper.curve.Reported;
import gapwise.paper.reading.PaperFields;
import gapwise.paper.reading.PaperFieldsJson;
import gapwise.paper.trace.AtRiskRow;
import gapwise.paper.trace.CurveProposal;
import gapwise.paper.trace.DataPoint;
import gapwise.paper.trace.FigureProposal;
import gapwise.paper.trace.Figures;
import gapwise.synthesis.survival.PatientTime;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Prints what is found in a PDF by itself, as JSON: {@code fields}, tables as {@code grids},
 * survival curves as {@code curves} with times of patients, signs in other figures as {@code
 * scatters}. For a person who wants to see how well papers of another kind are read.
 */
final class PaperReading {
  private static final ObjectMapper JSON = new ObjectMapper();

  private PaperReading() {}

  public static void main(String[] arguments) throws java.io.IOException {
    Opening opening = Paper.open(Path.of(arguments[0]));
    if (!(opening instanceof Opened opened)) {
      System.out.println(JSON.writeValueAsString(opening));
      return;
    }
    try (Paper paper = opened.paper()) {
      List<Page> pages = new ArrayList<>();
      for (int number = 1; number <= paper.pages(); number++) {
        if (paper.page(number) instanceof Page page) {
          pages.add(page);
        }
      }
      ObjectNode all = PaperFieldsJson.of(PaperFields.of(pages, List.of()));
      ArrayNode curves = all.putArray("curves");
      ArrayNode scatters = all.putArray("scatters");
      for (Page page : pages) {
        for (FigureProposal figure : Figures.on(page)) {
          if (figure.curves().isEmpty()) {
            scatters.add(scatter(figure, scatters.size()));
          } else {
            curves.add(curves(figure, curves.size()));
          }
        }
      }
      System.out.println(JSON.writerWithDefaultPrettyPrinter().writeValueAsString(all));
    }
  }

  private static String id(FigureProposal figure, int before) {
    String number = figure.caption().replaceFirst("^[^0-9]*([0-9]+).*$", "$1");
    return "figure" + (number.isEmpty() ? before + 1 : number);
  }

  private static ObjectNode scatter(FigureProposal figure, int before) {
    ObjectNode node = JSON.createObjectNode();
    node.put("id", id(figure, before));
    node.put("page", figure.page());
    ArrayNode groups = node.putArray("groups");
    for (List<DataPoint> kind : figure.points()) {
      ArrayNode points = groups.addObject().put("arm", "" + groups.size()).putArray("points");
      kind.forEach(point -> points.addArray().add(point.x()).add(point.y()));
    }
    return node;
  }

  private static ObjectNode curves(FigureProposal figure, int before) {
    ObjectNode node = JSON.createObjectNode();
    node.put("id", id(figure, before));
    node.put("page", figure.page());
    node.put("unit", figure.unit().orElse("months"));
    node.put("title", figure.title());
    figure.questions().forEach(node.withArray("questions")::add);
    ArrayNode groups = node.putArray("groups");
    for (CurveProposal curve : figure.curves()) {
      ObjectNode group = groups.addObject();
      group.put("label", curve.label());
      curve.questions().forEach(group.withArray("questions")::add);
      if (curve.atRisk().isPresent()) {
        AtRiskRow row = curve.atRisk().get();
        Reported reported =
            new Reported(
                row.patients().get(0),
                row.times(),
                row.patients(),
                curve.seenLast(),
                OptionalInt.empty(),
                OptionalDouble.empty());
        Rebuilt rebuilt = Rebuilt.of(curve.steps(), reported);
        rebuilt.sentences().forEach(group.withArray("sentences")::add);
        ArrayNode people = group.putArray("individuals");
        for (PatientTime time : rebuilt.times().patients()) {
          people.addArray().add(Math.rint(time.time() * 1000) / 1000).add(time.event() ? 1 : 0);
        }
      }
    }
    return node;
  }
}
