package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.OutcomeFamily;
import gapwise.problem.Problem;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.search.words.PlainWords;
import gapwise.search.words.Reading;
import gapwise.search.words.Understood;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.address.ListColumn;
import gapwise.server.address.PagePaths;
import gapwise.server.address.TypedWords;
import gapwise.server.page.Templates;
import gapwise.server.page.part.FilterForm;
import gapwise.server.page.part.FilterWords;
import gapwise.server.page.part.OutcomeChoice;
import gapwise.server.route.Routes;
import gapwise.wording.Defects;
import gapwise.wording.FollowUps;
import io.javalin.http.Context;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What the search box has understood while someone types, as a part of the page of studies. */
public final class SuggestPart {
  static final String PATH = "/understood";

  private final Templates templates;
  private final StudySearch search;

  public SuggestPart(Templates templates, StudySearch search) {
    this.templates = templates;
    this.search = search;
  }

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(PATH, Right.SEE, this::show);
  }

  private void show(Context context) {
    templates.show(context, "studies/SuggestPart", view(new Address(context.queryParamMap())));
  }

  private SuggestView view(Address typed) {
    String box = typed.first(TypedWords.BOX);
    if (box.isEmpty()) {
      return new SuggestView.Silent();
    }
    Optional<Problem> tooMany = TypedWords.wrong(typed);
    if (tooMany.isPresent()) {
      // Told in the part itself, since the page puts in no answer that is a failure.
      return new SuggestView.Refused(tooMany.get().message());
    }
    Understood words = PlainWords.read(box);
    Address address =
        ListColumn.tidy(TypedWords.understood(typed)).without(List.of("page", TypedWords.ASIDE));
    SearchRequest request = Filters.read(address);
    Optional<String> spelling = search.didYouMean(request);
    int arms = search.count(request);
    return new SuggestView.Understood(
        words.readings().stream().map(SuggestPart::part).toList(),
        words.rest(),
        String.join(" ", words.aside()),
        arms == 0
            ? say("studies.would-find-none")
            : say("studies.would-find", Map.of("groups", arms)),
        address.at(PagePaths.STUDIES),
        spelling.map(
            text ->
                new FilterForm.On(text, PagePaths.STUDIES, address.with(TypedWords.BOX, text))));
  }

  private static SuggestView.Part part(Reading reading) {
    return new SuggestView.Part(reading.typed(), meaning(reading));
  }

  private static String meaning(Reading reading) {
    if (reading instanceof Reading.Coded coded) {
      Optional<OutcomeFamily> family = OutcomeFamily.exactly(coded.codes());
      if (coded.kind() == Reading.Kind.OUTCOME && family.isPresent()) {
        return OutcomeChoice.any(family.get());
      }
      return coded.codes().stream()
          .map(code -> label(coded.kind(), code))
          .collect(Collectors.joining(" or "));
    }
    if (reading instanceof Reading.Size size) {
      return say("studies.understood-bone", Map.of("range", Defects.range(size.range())));
    }
    if (reading instanceof Reading.FollowUp followUp) {
      return FollowUps.atLeast(followUp.months());
    }
    return published((Reading.Years) reading);
  }

  private static String published(Reading.Years years) {
    Map<String, String> ends = new HashMap<>();
    years.from().ifPresent(year -> ends.put("from", Integer.toString(year)));
    years.to().ifPresent(year -> ends.put("to", Integer.toString(year)));
    if (ends.size() == 2) {
      return say("studies.published-between", ends);
    }
    return say(ends.containsKey("from") ? "studies.published-from" : "studies.published-to", ends);
  }

  private static String label(Reading.Kind kind, String code) {
    Optional<String> words =
        kind == Reading.Kind.METHOD
            ? Method.vocabulary().find(code).map(Method::shortLabel)
            : FilterWords.of(kind.word(), code);
    return words.orElse(code);
  }
}
