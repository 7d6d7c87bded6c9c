package gapwise.analysis.network;

import gapwise.analysis.result.Result;
import gapwise.effect.BackTransform;
import gapwise.synthesis.network.NetworkStudy;
import gapwise.synthesis.network.exact.CountedStudy;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What the rows of a network come to.
 *
 * @param named every treatment that a row names, studies left out included
 * @param studies those that enter with effects and their covariances
 * @param counted the same by their counts; empty unless the plan takes counts as they are
 * @param rows one entry a data row
 * @param participants of treatments in studies that enter; empty where rows are contrasts
 * @param data what went in
 * @param shown the way back to what people read
 * @param warnings about rows
 */
record NetworkData(
    Set<String> named,
    List<NetworkStudy> studies,
    List<CountedStudy> counted,
    List<Result.Study> rows,
    Map<String, Double> participants,
    Result.Data data,
    BackTransform shown,
    List<Result.Warning> warnings) {
  NetworkData {
    named = Set.copyOf(named);
    studies = List.copyOf(studies);
    counted = List.copyOf(counted);
    rows = List.copyOf(rows);
    participants = Map.copyOf(participants);
    warnings = List.copyOf(warnings);
  }
}
