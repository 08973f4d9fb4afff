import { Controller, Get } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { shippedLiquids, type LiquidFacts } from '#chemistry';
import { shippedLiquid, type ShippedLiquid } from '#contract';
import { Documents } from '../docs/documented.js';

/** The liquids that ship with the program, with the evidence behind their figures. */
@ApiTags('recipes')
@Controller('shipped-liquids')
export class ShippedLiquidsController {
  @Get()
  @Documents({ summary: 'The liquids that need no figures of their own', answer: shippedLiquid, list: true })
  list(): ShippedLiquid[] {
    return shippedLiquids.map(shown);
  }
}

function shown({ aliases, allergens, ranges, ...facts }: LiquidFacts): ShippedLiquid {
  const told = Object.entries(ranges).map(([name, [low, high]]) => [name, { low, high }] as const);
  return {
    ...facts,
    aliases: [...aliases],
    allergens: [...allergens],
    ranges: Object.fromEntries(told),
  };
}
