package gapwise.server.page;

import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.route.Routes;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** How results are worked out, what they cannot say, and what the words mean. */
public final class MethodPage {
  private final Templates templates;
  private final Sites sites;

  public MethodPage(Templates templates, Sites sites) {
    this.templates = templates;
    this.sites = sites;
  }

  /** What the template shows. */
  public record View(Site site, List<Method> methods, Map<String, List<Outcome>> outcomes) {}

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(
        PagePaths.METHOD,
        Right.SEE,
        context ->
            templates.show(
                context,
                "MethodPage",
                new View(
                    sites.of(
                        "How it is worked out", Place.METHOD, new Address(context.queryParamMap())),
                    Method.vocabulary().all(),
                    Outcome.vocabulary().all().stream()
                        .collect(
                            Collectors.groupingBy(
                                Outcome::family, LinkedHashMap::new, Collectors.toList())))));
  }
}
