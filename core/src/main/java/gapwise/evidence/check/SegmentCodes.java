package gapwise.evidence.check;

import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Group;
import gapwise.evidence.rule.GroupRule;
import gapwise.evidence.vocabulary.Bone;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Bone segments by the AO/OTA compendium of 2018 (codes from memory, so a strange one is doubtful
 * and not refused), and whether they belong to the bones that are named.
 */
final class SegmentCodes implements GroupRule {
  private static final Pattern CODE = Pattern.compile("(3[1234]|4[1234F]|8\\d?).*");
  private static final Map<Character, Set<Bone>> BONES =
      Map.of(
          '3', Set.of(Bone.FEMUR, Bone.KNEE, Bone.LOWER_LIMB),
          '4', Set.of(Bone.TIBIA, Bone.FIBULA, Bone.KNEE, Bone.ANKLE, Bone.LOWER_LIMB),
          '8', Set.of(Bone.FOOT, Bone.ANKLE, Bone.LOWER_LIMB));

  @Override
  public void check(Group group, Findings findings) {
    Set<Bone> named =
        group.baseline().bones().stream().map(count -> count.bone()).collect(Collectors.toSet());
    for (String segment : group.baseline().segments()) {
      if (!CODE.matcher(segment).matches()) {
        findings.doubtful(
            group.part("segments"),
            "segment-unknown",
            "'"
                + segment
                + "' is no AO/OTA code of a segment of the lower limb: 31 to 34, 41 to 44 or 8 were"
                + " expected at its start.");
      } else if (!named.isEmpty()
          && BONES.getOrDefault(segment.charAt(0), Set.of()).stream().noneMatch(named::contains)) {
        findings.doubtful(
            group.part("segments"),
            "segment-of-another-bone",
            "Segment '" + segment + "' does not belong to the bones that are named. Check both.");
      }
    }
  }
}
