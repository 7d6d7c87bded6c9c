package gapwise.decision.certainty;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What a person settled of the certainty of one number. Who and when stand with the version that is
 * kept.
 *
 * @param levels by how many levels each domain lowers, 0 to 3; one for each domain
 * @param reason why, not blank
 * @param data the studies that were judged with their versions, so that it is asked again when they
 *     change
 */
public record Judgement(Map<Domain, Integer> levels, String reason, List<String> data) {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  public Judgement {
    levels = Map.copyOf(levels);
    Objects.requireNonNull(reason, "reason");
    data = List.copyOf(data);
    if (levels.size() != Domain.values().length || reason.isBlank()) {
      throw new IllegalArgumentException("a judgement needs each domain and a reason");
    }
  }

  /** The judgement that goes with a proposal, where its levels are kept or changed. */
  public Rating of(Rating proposed) {
    List<Lowering> lowerings = new ArrayList<>();
    for (Lowering one : proposed.lowerings()) {
      lowerings.add(new Lowering(one.domain(), levels(one.domain()), one.reason()));
    }
    return new Rating(proposed.start(), lowerings, 0);
  }

  /** By how many levels a domain lowers. */
  private int levels(Domain domain) {
    return Optional.ofNullable(levels.get(domain)).orElseThrow();
  }

  /** As it is kept. */
  public String json() {
    ObjectNode node = JSON.createObjectNode();
    ObjectNode lowered = node.putObject("levels");
    for (Domain domain : Domain.values()) {
      lowered.put(domain.code(), levels(domain));
    }
    node.put("reason", reason);
    data.forEach(node.putArray("data")::add);
    return node.toString();
  }

  /**
   * Reads what {@link #json} wrote.
   *
   * @throws IllegalArgumentException when the text is none
   */
  public static Judgement ofJson(String json) {
    try {
      JsonNode node = JSON.readTree(json);
      Map<Domain, Integer> levels = new EnumMap<>(Domain.class);
      for (Domain domain : Domain.values()) {
        levels.put(domain, node.required("levels").required(domain.code()).asInt());
      }
      List<String> data = new ArrayList<>();
      node.required("data").forEach(one -> data.add(one.asText()));
      return new Judgement(levels, node.required("reason").asText(), data);
    } catch (IOException unreadable) {
      throw new IllegalArgumentException("not a judgement", unreadable);
    }
  }
}
