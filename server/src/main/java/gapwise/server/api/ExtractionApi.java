package gapwise.server.api;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.answer.StudyAddress;
import gapwise.exchange.TemplateColumn;
import gapwise.extraction.Difference;
import gapwise.extraction.FieldChoice;
import gapwise.extraction.Reconciliation;
import gapwise.extraction.Side;
import gapwise.extraction.TwiceRead;
import gapwise.server.account.Right;
import gapwise.server.home.Extractions;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.Locale;
import java.util.Objects;

/**
 * Where two people who extracted a paper apart differed, and who settled it and why. Nothing of
 * what either read is told before both stand and can change no more.
 */
public final class ExtractionApi {
  private final Extractions extractions;

  public ExtractionApi(Extractions extractions) {
    this.extractions = Objects.requireNonNull(extractions, "extractions");
  }

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(Api.ROOT + "/studies/{id}/extraction", Right.SEE, this::show);
  }

  private void show(Context context) {
    String id = context.pathParam("id");
    TwiceRead paper =
        extractions
            .find(StudyAddress.id(id))
            .or(() -> extractions.find(id))
            .orElseThrow(() -> new NotFoundResponse(say("extraction.no-paper")))
            .paper();
    ObjectNode json = Json.object();
    json.put("study", paper.study());
    json.put("stage", paper.stage().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    ArrayNode readers = json.putArray("readers");
    for (Side side : Side.values()) {
      ObjectNode reader = readers.addObject().put("name", paper.reader(side).name());
      paper.handedIn(side).ifPresent(one -> reader.put("handedIn", one.when().toString()));
    }
    paper
        .settling()
        .ifPresent(
            one ->
                json.putObject("settledBy")
                    .put("name", one.who().name())
                    .put("alsoExtracted", paper.side(one.who()).isPresent())
                    .put("begun", one.when().toString()));
    paper
        .finished()
        .ifPresent(
            end ->
                json.putObject("agreed")
                    .put("version", end.version())
                    .put("why", end.why())
                    .put("on", end.when().toString()));
    extractions.reconciliation(paper.study()).ifPresent(both -> put(json, both));
    Json.answer(context, json);
  }

  private static void put(ObjectNode json, Reconciliation both) {
    json.put("alike", both.compared().alike().size());
    ArrayNode differences = json.putArray("differences");
    for (Difference one : both.compared().differences()) {
      ObjectNode node = differences.addObject();
      node.put("sheet", one.pair().sheet());
      ArrayNode row = node.putArray("row");
      one.pair().named().forEach(row::add);
      one.column().map(TemplateColumn::name).ifPresent(column -> node.put("column", column));
      node.put("first", one.first().text());
      node.put("second", one.second().text());
      both.choice(one).ifPresent(choice -> put(node.putObject("settled"), choice));
    }
  }

  private static void put(ObjectNode node, FieldChoice choice) {
    node.put("taken", choice.taken().name().toLowerCase(Locale.ROOT));
    node.put("value", choice.value());
    node.put("why", choice.why());
    node.put("by", choice.who().name());
    node.put("on", choice.when().toString());
  }
}
