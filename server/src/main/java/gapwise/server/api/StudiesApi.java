package gapwise.server.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.answer.StudyAddress;
import gapwise.curation.KeptStudy;
import gapwise.curation.StudiesAt;
import gapwise.curation.StudyVersion;
import gapwise.evidence.Arm;
import gapwise.evidence.ArmDefect;
import gapwise.evidence.EvidenceJson;
import gapwise.evidence.Study;
import gapwise.evidence.unit.LengthRange;
import gapwise.search.LengthNotSaid;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.address.Orders;
import gapwise.server.address.Paging;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Optional;

/** Groups found by the same filters as on the page, and single studies with their history. */
final class StudiesApi {
  private final StudySearch search;
  private final StudiesAt studies;

  StudiesApi(StudySearch search, StudiesAt studies) {
    this.search = search;
    this.studies = studies;
  }

  void addTo(Routes routes) {
    routes.get(Api.ROOT + "/studies", Right.SEE, this::found);
    routes.get(Api.ROOT + "/studies/{id}", Right.SEE, this::study);
    routes.get(Api.ROOT + "/studies/{id}/history", Right.SEE, this::history);
  }

  private void found(Context context) {
    Address address = new Address(context.queryParamMap());
    int page = Paging.read(address);
    SearchRequest request = Filters.read(address);
    SearchAnswer answer =
        search.search(request, Orders.read(address), (page - 1) * Paging.LINES, Paging.LINES);
    ObjectNode json = Json.object();
    json.put("groups", answer.arms());
    json.put("studies", answer.studies());
    json.put("patients", answer.patients());
    if (request.lengthsOfPatients().isPresent()) {
      notSaid(json, search.lengthNotSaid(request, answer));
    }
    json.put("page", page);
    json.put("perPage", Paging.LINES);
    ArrayNode hits = json.putArray("found");
    answer.hits().forEach(hit -> add(hits, hit, request.lengthsOfPatients()));
    ObjectNode counts = json.putObject("counts");
    for (SearchAnswer.Facet facet : answer.facets()) {
      ObjectNode ofFilter = counts.putObject(facet.filter());
      facet.counts().forEach(count -> ofFilter.put(count.code(), count.arms()));
    }
    answer.didYouMean().ifPresent(text -> json.put("didYouMean", text));
    Json.answer(context, json);
  }

  /** Groups that are not among those found, since they do not say whether they have the length. */
  private static void notSaid(ObjectNode json, LengthNotSaid counted) {
    json.putObject("notCounted")
        .put("oneEndOfLength", counted.oneEnd())
        .put("lengthNotGiven", counted.unknown());
  }

  private void add(ArrayNode hits, SearchAnswer.ArmHit hit, Optional<LengthRange> lengths) {
    studies
        .study(hit.studyId())
        .map(KeptStudy::study)
        .ifPresent(
            study -> study.arm(hit.armId()).ifPresent(arm -> hits.add(line(study, arm, lengths))));
  }

  private static ObjectNode line(Study study, Arm arm, Optional<LengthRange> lengths) {
    ObjectNode line = Json.object();
    line.put("study", study.id());
    line.put("arm", arm.id());
    line.put("label", study.citation().label());
    line.put("method", arm.method().principal().code());
    study.citation().year().ifPresent(year -> line.put("year", year));
    arm.baseline().patients().ifPresent(patients -> line.put("patients", patients));
    lengths
        .flatMap(range -> patientsInRange(study, arm, range))
        .ifPresent(inside -> line.put("patientsInRange", inside));
    line.put("invented", study.invented());
    return line;
  }

  /** Empty where the group counts as a whole. */
  private static Optional<Long> patientsInRange(Study study, Arm arm, LengthRange range) {
    return ArmDefect.of(study, arm)
        .map(defect -> defect.countedByPatients(arm.baseline().patients()))
        .filter(lengths -> !lengths.isEmpty())
        .map(lengths -> lengths.stream().filter(range::contains).count());
  }

  private void study(Context context) {
    String id = context.pathParam("id");
    KeptStudy kept =
        studies
            .study(StudyAddress.id(id))
            .or(() -> studies.study(id))
            .orElseThrow(() -> missing(id));
    context
        .contentType("application/json")
        .header("ETag", "\"" + kept.version() + "\"")
        .result(EvidenceJson.write(kept.study()));
  }

  private void history(Context context) {
    String asked = context.pathParam("id");
    String meant = StudyAddress.id(asked);
    String id = studies.history(meant).isEmpty() ? asked : meant;
    List<StudyVersion> history = studies.history(id);
    if (history.isEmpty()) {
      throw missing(id);
    }
    ObjectNode json = Json.object();
    ArrayNode versions = json.put("study", id).putArray("versions");
    for (StudyVersion version : history) {
      versions
          .addObject()
          .put("version", version.stamp().version())
          .put("change", version.stamp().change())
          .put("when", version.stamp().when().toString())
          .put("who", version.stamp().who())
          .put("why", version.stamp().why())
          .put("removed", version.study().isEmpty());
    }
    Json.answer(context, json);
  }

  private static NotFoundResponse missing(String id) {
    return new NotFoundResponse("There is no study '" + id + "' here.");
  }
}
