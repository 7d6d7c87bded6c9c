/**
 * What an export carries beside the studies, and an import takes back: documents as they stand,
 * each read by the room it belongs to. Start at {@link gapwise.carried.CarriedLines}.
 */
package gapwise.carried;
