import { Controller, Get } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { shippedFats, type ShippedFatFacts } from '#chemistry';
import { shippedFat, type ShippedFat } from '#contract';
import { Documents } from '../docs/documented.js';

/** The fats that ship with the program, with the evidence behind each of their figures. */
@ApiTags('fats')
@Controller('shipped-fats')
export class ShippedFatsController {
  @Get()
  @Documents({ summary: 'The fats that need no entry of their own', answer: shippedFat, list: true })
  list(): ShippedFat[] {
    return shippedFats.map(shown);
  }
}

/** All that is known, but for the tags, which only rules read. */
function shown({ tags: _tags, confirmed: _confirmed, aliases, ...facts }: ShippedFatFacts): ShippedFat {
  return { ...facts, aliases: [...aliases] };
}
