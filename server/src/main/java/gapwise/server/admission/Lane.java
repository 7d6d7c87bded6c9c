package gapwise.server.admission;

import java.util.List;
import java.util.Set;

/**
 * What kind of work a route is, decided here and nowhere else. Requests of one lane wait for one
 * another and never for those of another, so that whoever sends costly plans keeps nobody from the
 * answers of the evidence base, and nothing keeps anybody from its plain pages.
 */
enum Lane {
  /** Pages and answers that read a little and compute nothing; they never wait. */
  FREE(0, 1),
  /** Answers that are pooled, drawn or counted from the evidence base. */
  ANSWERS(100, 5),
  /** Tables of all that was found; a slow reader holds its place, so they stand apart. */
  TABLES(20, 30),
  /** Plans that somebody sends. */
  PLANS(8, 15),
  /** Forms and uploads, which are taken apart in memory. */
  INTAKE(20, 10);

  private static final String API = "/api/v1";

  /** What is read and not computed; every other route to read is taken for an answer. */
  private static final Set<String> PLAIN =
      Set.of(
          "/",
          "/studies",
          "/studies/{id}",
          "/understood",
          "/ask",
          "/method",
          "/import",
          "/import/{id}",
          "/import/{id}/changes.csv",
          "/import/template.xlsx",
          "/import/template/{sheet}",
          "/references",
          "/references/{id}",
          "/references/kept",
          "/references/kept/{reference}",
          "/references/searches.csv",
          "/screening",
          "/screening/read",
          "/screening/apart",
          "/extraction",
          "/extraction/{study}",
          "/extraction/{study}/settle",
          "/desk",
          "/desk/{draft}",
          "/favicon.ico",
          "/health",
          "/sign-in",
          "/me",
          "/people",
          "/people/trail",
          API + "/studies",
          API + "/studies/{id}",
          API + "/studies/{id}/history",
          API + "/studies/{id}/extraction",
          API + "/imports/{id}",
          API + "/vocabularies",
          API + "/openapi.json");

  /**
   * A field of a draft, a pair settled: whoever does one thing after another waits for nobody. Nor
   * does who signs in or looks after accounts; passwords wait for one another where they are
   * hashed.
   */
  private static final Set<String> SMALL_FORMS =
      Set.of(
          "/desk/{draft}/cell",
          "/references/pairs",
          "/screening/read",
          "/screening/apart",
          "/sign-in",
          "/sign-out",
          "/me/password",
          "/me/tokens",
          "/me/tokens/{token}/end",
          "/people",
          "/people/{name}/role",
          "/people/{name}/password",
          "/people/{name}/close",
          "/people/tokens/{token}/end",
          "/extraction/{study}/settle");

  private static final Set<String> WHOLE_TABLES =
      Set.of(
          "/studies.csv",
          "/studies.xlsx",
          "/references/{id}/{file}",
          "/screening/left-out.csv",
          "/people/trail.csv",
          API + "/supplement.zip",
          API + "/by-size-supplement.zip",
          API + "/funnel-supplement.zip",
          API + "/compare-supplement.zip");
  private static final List<String> SENT_PLANS =
      List.of(API + "/syntheses", API + "/methods", API + "/figure");

  private final int queue;
  private final int retryAfterSeconds;

  Lane(int queue, int retryAfterSeconds) {
    this.queue = queue;
    this.retryAfterSeconds = retryAfterSeconds;
  }

  /**
   * The lane of a route.
   *
   * @param method such as "GET"
   * @param path as the route is written, such as "/studies/{id}"
   */
  static Lane of(String method, String path) {
    if (method.equals("POST") && SMALL_FORMS.contains(path)) {
      return FREE;
    }
    if (method.equals("POST")) {
      return SENT_PLANS.stream().anyMatch(path::startsWith) ? PLANS : INTAKE;
    }
    if (WHOLE_TABLES.contains(path)) {
      return TABLES;
    }
    return PLAIN.contains(path) || path.startsWith("/assets/") ? FREE : ANSWERS;
  }

  /** Most that wait; each holds a thread, of which there are 250. */
  int queue() {
    return queue;
  }

  /** After how many seconds it is worth asking again. */
  int retryAfterSeconds() {
    return retryAfterSeconds;
  }
}
