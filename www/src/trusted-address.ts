// The page's one Trusted Types policy. It makes no markup and no script, only
// the addresses of our own workers: a file beside the page, or a blob that this
// page made.

import * as say from "#words";

// TypeScript's own library does not describe Trusted Types yet.
interface Policy {
  createScriptURL(address: string): string;
}
interface PolicyFactory {
  createPolicy(name: string, rules: Policy): Policy;
}

function own(address: string): string {
  const url = new URL(address, document.baseURI);
  if (url.origin !== location.origin && url.protocol !== "blob:") {
    throw new TypeError(say.notOurAddress({ address }));
  }
  return address;
}

const factory = (globalThis as { trustedTypes?: PolicyFactory }).trustedTypes;
const policy: Policy = factory?.createPolicy("overspread", { createScriptURL: own }) ?? {
  createScriptURL: own,
};

/** An address that `Worker` and `serviceWorker.register` accept. */
export function workerAddress(address: string): string {
  return policy.createScriptURL(address);
}
