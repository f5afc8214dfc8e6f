import { oneBoard } from "../placement/one-board.tester.ts";
import { testRule } from "../rule.tester.ts";
import { acceptWithoutReason } from "./accept-without-reason.ts";

testRule(acceptWithoutReason, [
  { name: "nothing accepted", circuits: [{}], finds: "nothing" },
  {
    name: "accepted with the shortest of reasons",
    circuits: [{ accept: { "conductor/voltage-drop": "x" } }],
    finds: "nothing",
  },
  {
    name: "accepted with an empty reason",
    circuits: [{ accept: { "conductor/voltage-drop": "" } }],
    finds: [
      {
        subject: "Heater",
        on: "accept.conductor/voltage-drop",
        message: "The reason for conductor/voltage-drop is empty, so the finding is not accepted",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "accepted with blanks only",
    circuits: [{ accept: { "conductor/ampacity": " \t" } }],
    finds: [
      {
        on: "accept.conductor/ampacity",
        message: "The reason for conductor/ampacity is empty",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "one of two without a reason",
    circuits: [{ accept: { "conductor/ampacity": "seconds only", "protection/headroom": "" } }],
    finds: [
      {
        on: "accept.protection/headroom",
        message: "The reason for protection/headroom is empty, so the finding is not accepted",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a cable without a reason",
    plan: oneBoard({ feed: `accept: { "conductor/ampacity": "" }` }),
    finds: [
      {
        subject: "feed",
        on: "accept.conductor/ampacity",
        message: "The reason for conductor/ampacity is empty, so the finding is not accepted",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a part without a reason",
    plan: oneBoard({ off: `accept: { "disconnect/rating": " " }` }),
    finds: [
      {
        subject: "main switch",
        on: "accept.disconnect/rating",
        message: "The reason for disconnect/rating is empty, so the finding is not accepted",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a surface without a reason",
    plan: oneBoard({ surface: `accept: { "placement/mass": "" }` }),
    finds: [
      {
        subject: "board",
        on: "accept.placement/mass",
        message: "The reason for placement/mass is empty, so the finding is not accepted",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a channel without a reason",
    plan: oneBoard({
      more: `channel({ name: "trunking", on: board, path: [{ leftMm: 0, topMm: 0 }, { leftMm: 400, topMm: 0 }], accept: { "placement/channel-fill": "" } });`,
    }),
    finds: [
      {
        subject: "trunking",
        on: "accept.placement/channel-fill",
        message: "The reason for placement/channel-fill is empty, so the finding is not accepted",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a compartment without a reason",
    plan: oneBoard({
      more: `compartment({ name: "locker", accept: { "placement/battery-ventilation": "" } });`,
    }),
    finds: [
      {
        subject: "locker",
        on: "accept.placement/battery-ventilation",
        message: "The reason for placement/battery-ventilation is empty, so the finding is not accepted",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a circuit in a network without a reason",
    plan: oneBoard({
      more: `circuit({ name: "lamp", from: main.stud, returnTo: minus.stud, load: 1, oneWayFt: 5, gauge: 14, protect: { ...classT, ratingA: 5, distanceIn: 4 }, accept: { "conductor/voltage-drop": "" } });`,
    }),
    finds: [
      {
        subject: "lamp",
        on: "accept.conductor/voltage-drop",
        message: "The reason for conductor/voltage-drop is empty, so the finding is not accepted",
        fixes: "no fix",
      },
    ],
  },
]);
