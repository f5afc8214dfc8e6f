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
]);
